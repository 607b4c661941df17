/** Checks of the pages in a real browser. */
@NullMarked
package boundwright.browser;

import org.jspecify.annotations.NullMarked;

