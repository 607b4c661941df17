/** Films made here, and by an outside encoder, read back. */
@NullMarked
package boundwright.clip.film;

import org.jspecify.annotations.NullMarked;

