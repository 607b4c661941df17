/**
 * Take-off and start marks, the window in which a mark works, and one set of tapes for a squad. This room answers:
 * where does the tape go, how sure is that, and what would open a window that is closed?
 */
@NullMarked
package boundwright.runway;

import org.jspecify.annotations.NullMarked;

