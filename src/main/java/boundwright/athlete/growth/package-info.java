/**
 * How somebody grows: heights with their day, centimetres a year with how sure, the maturity offset, and when to measure again. It describes; it
 * names no talent, makes no diagnosis, and says nothing of adults.
 */
@NullMarked
package boundwright.athlete.growth;

import org.jspecify.annotations.NullMarked;
