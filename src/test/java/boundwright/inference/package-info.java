@NullMarked
package boundwright.inference;

import org.jspecify.annotations.NullMarked;
