/** What was measured off the right and off the left leg, described with its uncertainty; it advises no leg and no event. */
@NullMarked
package boundwright.approach.legs;

import org.jspecify.annotations.NullMarked;
