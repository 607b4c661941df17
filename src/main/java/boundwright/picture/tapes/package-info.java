/** The tapes of the day on the runway seen from above, with the names under each. */
@NullMarked
package boundwright.picture.tapes;

import org.jspecify.annotations.NullMarked;
