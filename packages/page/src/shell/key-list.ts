/** Every key that the page listens to beyond typing, by where it is pressed: the list under *Job*, and the table in docs/page.md. */
export const KEYS: readonly (readonly [where: string, keys: string, does: string])[] = [
  ['Anywhere', 'Tab', 'the next stop: title, menus, parts of the job, the part, the drawing'],
  [
    'Anywhere',
    'Escape',
    'takes back what is typed or closes what is open; else goes to the parts of the job, and from there closes the notice',
  ],
  ['Anywhere', 'Ctrl Z, Ctrl Y', 'undo, also of a job that was deleted, and do again'],
  ['Anywhere', 'Ctrl S', 'save as a file'],
  ['Anywhere', 'Ctrl Enter', 'Make it fit; once more makes the move'],
  ['A row of buttons', 'left, right, Home, End', 'along the row, to its ends'],
  ['Menus', 'down, up', 'opens the list and goes along it'],
  ['A field', 'Enter', 'keeps it and goes on to the next one'],
  ['A field with a figure', 'up, down', 'a step more or less; with Shift a fifth of it'],
  ['Dimensions', 'right, left, up, down, Home, End', 'to another one'],
  ['Dimensions', 'Enter', 'types over it; Enter again keeps it'],
  ['Circles on the arrises', 'arrow keys', '0.1 mm or 1/64 in; with Shift or Alt 0.01 mm or 1/256 in'],
  ['Squared paper', 'arrow keys', 'move the point; with Shift finer'],
  ['Squared paper', 'Enter', 'goes to the point'],
  ['Squared paper', 'L, A', 'reach it by a line, by an arc'],
  ['Squared paper', 'Page up, Page down', 'take another point in hand; Delete removes it, Escape draws on'],
  ['Squared paper', 'Backspace, Ctrl Z', 'a step back'],
];
