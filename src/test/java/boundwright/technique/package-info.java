/** Tests of what is looked for. */
@NullMarked
package boundwright.technique;

import org.jspecify.annotations.NullMarked;

