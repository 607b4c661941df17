/** Tests of the readiness room. */
@NullMarked
package boundwright.readiness;

import org.jspecify.annotations.NullMarked;

