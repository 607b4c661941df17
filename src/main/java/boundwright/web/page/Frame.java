package boundwright.web.page;

import boundwright.web.door.Caller;

/**
 * What every page needs around its content.
 *
 * @param title the page's title in the browser
 * @param here which entry of the menu is the present one, or empty
 * @param csrf this browser's form token, for the hidden field of every form that writes
 * @param invented whether the squad in the store is the invented one
 * @param keeping a few words if the data want a look by the coach at this machine, else empty
 * @param assets addresses of styles and scripts
 * @param caller who asks and how they came; the page offers only what they may do
 */
public record Frame(String title, String here, String csrf, boolean invented, String keeping, Assets assets, Caller caller) {}
