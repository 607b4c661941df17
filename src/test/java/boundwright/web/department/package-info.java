@NullMarked
package boundwright.web.department;

import org.jspecify.annotations.NullMarked;
