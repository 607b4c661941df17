@NullMarked
package boundwright.season;

import org.jspecify.annotations.NullMarked;
