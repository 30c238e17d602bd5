/** Surface temperatures at which trout suffer when played, degrees C (about 65 and 68 F). Common practice among trout anglers and agencies. */
export const TAKE_CARE_C = 18;
export const STOP_C = 20;
