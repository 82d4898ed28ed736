/** The body measurements of its Standards & Guidelines, read in a text copy of the tables in a public repository; the children's rows agree with a second page. */
export const source = "the Craft Yarn Council's tables, 2015 to 2018";
