/** A season as it is hung on a wall: by weeks for the whole of it, by days for one week; what was planned, and what was done. */
@NullMarked
package boundwright.season.sheet;

import org.jspecify.annotations.NullMarked;
