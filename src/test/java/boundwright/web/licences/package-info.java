/** Tests of what may ship. */
@NullMarked
package boundwright.web.licences;

import org.jspecify.annotations.NullMarked;
