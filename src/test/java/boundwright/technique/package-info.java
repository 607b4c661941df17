/** Tests of the technique room. */
@NullMarked
package boundwright.technique;

import org.jspecify.annotations.NullMarked;
