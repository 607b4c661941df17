/** Tests of the season room. */
@NullMarked
package boundwright.season;

import org.jspecify.annotations.NullMarked;
