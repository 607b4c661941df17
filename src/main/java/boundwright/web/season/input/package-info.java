/** A season entered and changed on screen, piece by piece; each piece is read by the file's own reader. */
@NullMarked
package boundwright.web.season.input;

import org.jspecify.annotations.NullMarked;
