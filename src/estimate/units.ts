/** 1 hp (550 ft·lbf/s), W: the unit of the NEMA tables. */
export const HORSEPOWER = 745.699872;

/** 1 lb·ft², kg·m². */
export const POUND_SQUARE_FOOT = 0.0421401;
