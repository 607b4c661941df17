@NullMarked
package boundwright.meet.chance;

import org.jspecify.annotations.NullMarked;
