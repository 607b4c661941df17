@NullMarked
package boundwright.season.order.timing;

import org.jspecify.annotations.NullMarked;
