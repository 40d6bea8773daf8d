/** What README.md and docs/ show of the library: each class is compiled, run and compared with the page by the build. */
package examples;
