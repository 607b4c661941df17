/**
 * Where to aim at the board, attempt by attempt: the form, the goal, the odds of rivals, the policy and what it is
 * worth.
 */
@NullMarked
package boundwright.approach.aim;

import org.jspecify.annotations.NullMarked;

