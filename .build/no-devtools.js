// Stands in for react-devtools-core, which Ink names but only uses while Ink itself is developed.
export default {};
