@NullMarked
package boundwright.meet.day;

import org.jspecify.annotations.NullMarked;
