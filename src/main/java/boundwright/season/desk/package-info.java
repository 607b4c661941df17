/** Keeps seasons, searches for plans in the background, proposes mends, and publishes: nothing is published that the guard refuses. */
@NullMarked
package boundwright.season.desk;

import org.jspecify.annotations.NullMarked;
