/**
 * What happens at the runway, as one service each: a rep with its identity, the question about an odd tape, the move of the mark, taking
 * a rep back; the day that was planned as work of the legs. A page, the command line, a file and a phone that comes back with thirty taps
 * all run these lines.
 */
@NullMarked
package boundwright.track;

import org.jspecify.annotations.NullMarked;

