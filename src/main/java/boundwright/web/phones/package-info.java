/** Letting phones in: the code, the list, the phone's own side of it, and how it learns to trust the certificate. */
@NullMarked
package boundwright.web.phones;

import org.jspecify.annotations.NullMarked;
