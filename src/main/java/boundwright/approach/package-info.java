/**
 * The full run-up to the board as a coach asks for it: start mark, check marks, what to move. Puts together what its
 * inner rooms know of the run, the board and the aim.
 */
@NullMarked
package boundwright.approach;

import org.jspecify.annotations.NullMarked;

