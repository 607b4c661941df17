/**
 * The way back of one leg after days off: stages as shares of the week it used to carry, the fewest days along them, what a day told,
 * and a range of dates by simulation. It judges load and says dates; it never clears anybody, which a named clinician and a date do.
 */
@NullMarked
package boundwright.load.back;

import org.jspecify.annotations.NullMarked;
