/**
 * How sure a plan is: the same season simulated many times, with sessions missed, rain, days away or held and learning drawn by chance, each
 * mended on the way so that no limit of load refuses a day of it. The same numbers are drawn for the same season whatever is asked of it, so
 * that what an hour more or a meet less would buy is a difference of pairs.
 */
@NullMarked
package boundwright.season.chance;

import org.jspecify.annotations.NullMarked;
