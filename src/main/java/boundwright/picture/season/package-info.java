/** A season drawn: weeks across, an athlete each down, the same on screen and paper. */
@NullMarked
package boundwright.picture.season;

import org.jspecify.annotations.NullMarked;
