/** Stands at the head of every page that is written here, so that a later run knows it may write over it. */
export const ownMark = '<meta name="generator" content="noodlewright">';
