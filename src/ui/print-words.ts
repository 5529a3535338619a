export const printWords = {
  heading: 'Card to print',
  close: 'Close',
  intro:
    'A marker card is found more surely than a bought card. Print it at 100 %, never “fit to page”, on stiff matt paper, cut it out, and measure the ruled line on the same sheet.',
  paper: 'Paper',
  a4: 'A4',
  letter: 'Letter',
  markerCard: 'Marker card (PDF)',
  printCheck: 'Print check (PDF)',
  board: 'Camera sheet (PDF)',
  printCheckNote: 'The print check has an outline to lay a real card on, to try a printer or a card.',
  boardNote:
    'The camera sheet is for making a camera profile (in the settings): glue the whole page onto something stiff and flat. Its size does not matter, so nothing is measured on it.',
  making: 'Making the PDF.',
  failed: 'The PDF could not be made. Reload the page and try again.',
  caution: 'Round the corners after cutting: card edges come near the eyes.',
};
