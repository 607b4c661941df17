/** Who stands at the door, by which address, and which pages are open to whom. */
@NullMarked
package boundwright.web.door;

import org.jspecify.annotations.NullMarked;
