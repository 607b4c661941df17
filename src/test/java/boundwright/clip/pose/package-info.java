/** Checks of the finding and following of body points. */
@NullMarked
package boundwright.clip.pose;

import org.jspecify.annotations.NullMarked;

