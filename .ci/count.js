// Prints "N passed, N failed" from the report vitest wrote. A test file that could not be run at all counts as one
// failed: its tests were never counted. Tests that did not run for another reason are named besides.
import { readFileSync } from 'node:fs';

const [path] = process.argv.slice(2);
let report;
try {
  report = JSON.parse(readFileSync(path, 'utf8'));
} catch {
  console.log('the test runner wrote no report: nothing can be counted');
  process.exit(1);
}
const notRun = report.testResults.filter(
  (file) => file.status === 'failed' && !file.assertionResults.some((test) => test.status === 'failed'),
);
for (const file of notRun) console.log(`could not be run: ${file.name}`);
const left = report.numPendingTests + report.numTodoTests;
if (left > 0) console.log(`${left} did not run`);
const failed = report.numFailedTests + notRun.length;
console.log(`${report.numPassedTests} passed, ${failed} failed`);
process.exit(failed === 0 && report.numPassedTests > 0 ? 0 : 1);
