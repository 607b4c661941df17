/** A whole rep as one long photograph made from its film, and single frames with their figures: what is shown of a film beyond the moment. */
@NullMarked
package boundwright.picture.film;

import org.jspecify.annotations.NullMarked;
