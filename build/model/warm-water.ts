/**
 * Surface temperatures at which trout suffer when played, degrees C (64 and 68 F). Common practice among trout
 * anglers and agencies, who stop at 68 to 70 F; the Wyoming Game and Fish Department names 65 and 70 F. The local agency's own limits come first.
 */
export const TAKE_CARE_C = 18;
export const STOP_C = 20;
