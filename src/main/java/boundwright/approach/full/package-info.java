/**
 * From the short run to the full run: how far an athlete will jump from a number of approach steps, learned from the distances of the whole squad,
 * and what wind and weather do to them.
 */
@NullMarked
package boundwright.approach.full;

import org.jspecify.annotations.NullMarked;
