/** Tests of simulated seasons. */
@NullMarked
package boundwright.season.chance;

import org.jspecify.annotations.NullMarked;
