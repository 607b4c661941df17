/** The day of a meet: when to warm up, the call room, the order, the likely wind, and each start mark moved for it. */
@NullMarked
package boundwright.meet.day;

import org.jspecify.annotations.NullMarked;
