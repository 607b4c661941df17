@NullMarked
package boundwright.approach.weather;

import org.jspecify.annotations.NullMarked;
