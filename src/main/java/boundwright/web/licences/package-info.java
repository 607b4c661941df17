/** What ships with the program, under which licences, and how their terms are kept. */
@NullMarked
package boundwright.web.licences;

import org.jspecify.annotations.NullMarked;
