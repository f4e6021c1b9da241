// The local server
