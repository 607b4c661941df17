/** Tests of how long flights are, and hand-made forecasts for other rooms' tests. */
@NullMarked
package boundwright.flight;

import org.jspecify.annotations.NullMarked;

