@NullMarked
package boundwright.season.order;

import org.jspecify.annotations.NullMarked;
