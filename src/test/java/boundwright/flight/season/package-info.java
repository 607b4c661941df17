/** Seasons of simulated athletes whose process is not the model's: does the learning keep its word over weeks of real logging? */
@NullMarked
package boundwright.flight.season;

import org.jspecify.annotations.NullMarked;

