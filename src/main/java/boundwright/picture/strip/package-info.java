/**
 * The runway strip: the runway from above, sand at the right end, tapes, feet, arcs, and the band in which each
 * contact will fall.
 */
@NullMarked
package boundwright.picture.strip;

import org.jspecify.annotations.NullMarked;

