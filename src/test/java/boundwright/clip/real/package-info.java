/** Films with a truth file beside them, read by the whole program and compared with it contact by contact. */
@NullMarked
package boundwright.clip.real;

import org.jspecify.annotations.NullMarked;
