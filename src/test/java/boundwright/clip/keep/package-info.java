/** Tests of where films are kept. */
@NullMarked
package boundwright.clip.keep;

import org.jspecify.annotations.NullMarked;
