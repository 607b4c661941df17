/** Checks of the pages over real HTTP on a real data folder. */
@NullMarked
package boundwright.web;

import org.jspecify.annotations.NullMarked;

