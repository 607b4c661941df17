/** Tests of the whole program: the direction of its rooms and what they may touch. */
@NullMarked
package boundwright;

import org.jspecify.annotations.NullMarked;

