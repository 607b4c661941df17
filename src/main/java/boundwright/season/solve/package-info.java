/**
 * Finds the plan: athlete by athlete along a beam within what the places leave, then together; the solver library is known here alone.
 */
@NullMarked
package boundwright.season.solve;

import org.jspecify.annotations.NullMarked;
