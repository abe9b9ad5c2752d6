// In English: the wall screen.
export const wall = {
  wall: {
    title: 'Wall screen',
    step: 'Step on',
    stay: 'Stay here',
    pageOf: (page: number, pages: number) => `${page} of ${pages}`,
    refused: 'This wall link is not valid any more.',
    refusedWhat: 'A manager makes a new one under Settings.',
    asking: 'Opening the wall screen…',
    unreached: 'No connection to the service. It tries again by itself.',
    noChambers: 'No chamber has been added yet.',
  },
};
