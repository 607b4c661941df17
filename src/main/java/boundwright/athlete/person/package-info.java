/**
 * Who an athlete is beside the runway: when they were born, and what they, or who answers for them, have agreed to. What has no answer here is
 * not agreed to.
 */
@NullMarked
package boundwright.athlete.person;

import org.jspecify.annotations.NullMarked;
