/** Style sheets are taken in for what they do. */
declare module '*.css'
