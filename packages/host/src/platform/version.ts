/** Version of Thrum, as answers and receipts name it. A test holds it against package.json. */
export const version = '0.1.0'
