/** Nothing is published that the guard refuses. */
@NullMarked
package boundwright.season.desk;

import org.jspecify.annotations.NullMarked;
