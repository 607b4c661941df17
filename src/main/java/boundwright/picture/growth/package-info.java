/** The picture of how somebody grows. */
@NullMarked
package boundwright.picture.growth;

import org.jspecify.annotations.NullMarked;
