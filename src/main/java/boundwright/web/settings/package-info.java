/** What a coach can set. */
@NullMarked
package boundwright.web.settings;

import org.jspecify.annotations.NullMarked;

