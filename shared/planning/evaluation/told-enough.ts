/** Looking for information alone: from this belief no more is looked for, and a check that tells fewer bits is not made. */
export const TOLD_ENOUGH = 0.8;
export const TELLS = 0.02;
