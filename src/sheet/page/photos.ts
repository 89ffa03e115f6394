// Photographs on the page: the small ones themselves, the others by file and digest alone.
import type { Copy } from '../area-text.ts';
import type { SheetFacts } from '../facts.ts';
import { isPicture, type PhotoFact, photoFile, photoWords } from '../photo-facts.ts';
import { timeText } from '../words.ts';
import { flowing, html, type Markup } from './markup.ts';

/** What the page itself shows: nothing but bytes that are in it. */
const pictureIn = ({ now }: PhotoFact): string | undefined =>
  now?.state === 'as noted' && now.picture !== undefined && isPicture(now.picture) ? now.picture : undefined;
export const showsPictures = ({ photos }: SheetFacts): boolean => photos.some((one) => pictureIn(one) !== undefined);

export const photosMarkup = ({ photos }: SheetFacts, copy: Copy): Markup | undefined =>
  photos.length === 0
    ? undefined
    : html`<div class="photos">
${photos.map((one) => photoMarkup(one, copy))}</div>
`;

function photoMarkup(photo: PhotoFact, copy: Copy): Markup {
  const picture = pictureIn(photo);
  const lost = photo.now !== undefined && photo.now.state !== 'as noted';
  return html`<figure>
${
  picture
    ? html`<img src="${picture}" alt="${photoWords(photo)}">
`
    : undefined
}<figcaption><strong>${flowing(photoWords(photo))}</strong><br>${flowing(timeText(photo))}<br>${lost ? html`<strong class="warn">${flowing(photoFile(photo, copy))}</strong>` : flowing(photoFile(photo, copy))}</figcaption>
</figure>
`;
}
