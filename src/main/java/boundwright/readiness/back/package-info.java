/**
 * The way back of a leg with all that is known of the athlete: what each stage asks, from the leg's own tests and their error; where it
 * stands today; a range of dates. It never clears anybody: a named clinician and a date do.
 */
@NullMarked
package boundwright.readiness.back;

import org.jspecify.annotations.NullMarked;
