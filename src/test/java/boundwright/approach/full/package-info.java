@NullMarked
package boundwright.approach.full;

import org.jspecify.annotations.NullMarked;
