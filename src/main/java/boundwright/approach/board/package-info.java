/**
 * Where the foot falls at the board: gaps, fouls and their spread, and which way the start mark has to move.
 */
@NullMarked
package boundwright.approach.board;

import org.jspecify.annotations.NullMarked;

