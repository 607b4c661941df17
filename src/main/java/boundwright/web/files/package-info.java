/** What goes in and out: import and export, cards and reports to print, the sources. */
@NullMarked
package boundwright.web.files;

import org.jspecify.annotations.NullMarked;

